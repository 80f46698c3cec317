import { z } from 'zod'
import { dateField, instantField } from '../calendar/dates.schema.ts'
import { inchesField } from '../kernel/fields.schema.ts'
import { programSchema, timeZoneField } from './program.schema.ts'

/** Where the JSON Schema of program files says it lives. */
const SCHEMA_ID = 'kerfbook-program-1.schema.json'

/**
 * The JSON Schema (draft 2020-12) of a program file. It says the shape only: that days exist, references lead
 * somewhere and times of knowing agree is checked when the file is read.
 */
export function programJsonSchema(): Record<string, unknown> {
  const { $schema, ...schema } = z.toJSONSchema(programSchema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema === dateField)
        Object.assign(jsonSchema, { format: 'date', pattern: '^(19|20|21)\\d\\d-\\d\\d-\\d\\d$' })
      if (zodSchema === instantField)
        Object.assign(jsonSchema, {
          format: 'date-time',
          pattern: '^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d{1,3})?)?Z$',
        })
      if (zodSchema === inchesField) Object.assign(jsonSchema, { exclusiveMinimum: 0, multipleOf: 0.0625 })
      // Whether zod writes the default of a list depends on whether it finds a transform below it.
      delete jsonSchema.default
      if (zodSchema === timeZoneField) jsonSchema.description = 'The name of a time zone, like America/Denver'
    },
  })
  return {
    $schema,
    $id: SCHEMA_ID,
    title: 'Kerfbook program file, version 1 (a draft)',
    description:
      'Everything a crew training and certification program knows, with the number of the entry in which each fact became known.',
    ...schema,
  }
}
