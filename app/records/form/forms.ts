import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { CARD_FORM, EXTENSION_FORM, RESOLUTION_FORM, SUSPENSION_FORM } from './card-forms.ts'
import { HITCH_FORM, PLACEMENT_FORM } from './hitch-forms.ts'
import type { FormParts } from './parts.ts'
import {
  ASSIGNMENT_FORM,
  CERTIFICATE_FORM,
  DESIGNATION_FORM,
  JOIN_FORM,
  MEMBERSHIP_FORM,
  PERMISSION_FORM,
  PERSON_FORM,
} from './people-forms.ts'
import {
  EXPECTED_WORK_FORM,
  ITEM_FORM,
  ORGANISATION_FORM,
  PLACE_FORM,
  RAISE_FORM,
  RATING_FORM,
} from './work-forms.ts'

/** The form of each section: what it asks, and how a record of it is shown. */
export const FORMS: Readonly<Record<RecordSection, FormParts>> = {
  people: PERSON_FORM,
  joins: JOIN_FORM,
  memberships: MEMBERSHIP_FORM,
  permissions: PERMISSION_FORM,
  certificates: CERTIFICATE_FORM,
  cards: CARD_FORM,
  extensions: EXTENSION_FORM,
  suspensions: SUSPENSION_FORM,
  resolutions: RESOLUTION_FORM,
  designations: DESIGNATION_FORM,
  assignments: ASSIGNMENT_FORM,
  organisations: ORGANISATION_FORM,
  places: PLACE_FORM,
  items: ITEM_FORM,
  expectedWork: EXPECTED_WORK_FORM,
  ratings: RATING_FORM,
  raises: RAISE_FORM,
  hitches: HITCH_FORM,
  placements: PLACEMENT_FORM,
}
