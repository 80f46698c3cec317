import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { beforeAll, describe, expect, it } from 'vitest'
import { answerJsonSchema, type AnswerJson } from '../../lib/core/authority/answer.schema.ts'
import { AUTHORITY_IS_NOT_SAFETY, INVENTED } from '../../lib/wording/notice.ts'
import { answered, DEMO, DEMO_DAY, FELLING, fileWith } from './command-line.ts'

const SCHEMA = new URL('../../seeds/kerfbook-answer-1.schema.json', import.meta.url)

function json(...words: readonly string[]): AnswerJson {
  return JSON.parse(answered(...words, '--json')) as AnswerJson
}

describe('ask, for people', () => {
  let out: string
  beforeAll(() => {
    out = answered('ask', DEMO, ...FELLING, '--place', 'north-ashlar')
  })

  it('[CL14] says the question, what governs it, and as of when', () => {
    const [question, governing, known] = out.split('\n')
    expect(question).toBe(
      'Who may fell a tree, 22 in across, moderately complex, with a crosscut saw, from 8 to 15 July 2027, at North Ashlar?',
    )
    expect(governing).toContain('Federal crosscut book')
    expect(known).toBe(
      'As known at entry 76 (3 May 2027, 14:30 UTC, which is 08:30 in America/Denver). Today is 3 May 2027.',
    )
  })

  it('[CL14] has four groups with counts, training apart, that are everybody together', () => {
    const counts = [...out.matchAll(/^ +(\d+) {2}(.+)$/gm)].map(([, count, group]) => [Number(count), group])
    expect(counts.map(([, group]) => group)).toEqual([
      'on their own',
      'under a B or C',
      'in training, under a designated B or C',
      'not on record',
      'no, and why',
    ])
    const data = json('ask', DEMO, ...FELLING, '--place', 'north-ashlar')
    const told = (standing: string, supervision?: string) =>
      data.answers.filter((answer) => answer.standing === standing && answer.supervision === supervision)
        .length
    expect(counts.map(([count]) => count)).toEqual([
      told('independent'),
      told('supervised', 'own-level'),
      told('supervised', 'training'),
      told('unknown'),
      told('none'),
    ])
    expect(data.answers).toHaveLength(59)
    for (const { name } of data.answers) expect(out).toContain(name)
  })

  it('[CL14] says for each person how long, why, and what would change it', () => {
    const lukasz = out.slice(out.indexOf('  Łukasz Wrzos')).split('\n\n')[0]
    expect(lukasz).toBe(
      [
        '  Łukasz Wrzos',
        '    From 8 to 11 July 2027: on their own.',
        '    From 12 to 15 July 2027: no.',
        '      - The last day of CPR is 11 July 2027. [certificate.cpr, published]',
        '    What would change it: renew CPR by 12 July 2027.',
        '    Besides: somebody else (4 others are on their own), another date (4 to 11 July 2027) or leave it.',
      ].join('\n'),
    )
    const benedikt = out.slice(out.indexOf('  Benedikt Aasland')).split('\n\n')[0]
    expect(benedikt).toContain('On their own, through 26 September 2027.')
    expect(benedikt).toContain('From 27 September 2027: no. The last day of CPR is 26 September 2027.')
    expect(benedikt).toContain('gives it, and every requirement is met.')
  })

  it('[CL14] says that no step is proposed, and what is open then', () => {
    expect(out).toMatch(
      /The record has no step to propose for these days\. .* is for the certifying official alone\. Open: somebody else \(4 others are on their own\) or leave it\./,
    )
  })

  it('[CL14] about one person it names that person and goes to the end', () => {
    const one = answered('ask', DEMO, ...FELLING, '--person', 'p-idris-penhallow')
    expect(one).toContain('May Idris Penhallow fell a tree')
    expect(one).toContain('[card.needed, published]')
    expect(one).not.toContain('nothing else to say')
  })

  it('[CL15] notes stand apart, each once', () => {
    const notes = out.slice(
      out.indexOf('Notes, which change no answer'),
      out.indexOf('Cautions for this work'),
    )
    expect(notes.match(/whose text is not held here/g)).toHaveLength(1)
    expect(notes).toContain('[everybody]')
    expect(notes).toMatch(/grant\.felling\.C is written from memory.*\[Siobhán Ó Briain, Yelena Marozava\]/)
  })

  it('[CL16] cautions stand in the order of the book with their sources, and the notices last', () => {
    const data = json('ask', DEMO, ...FELLING, '--place', 'north-ashlar')
    const places = data.cautions.map(({ name, text }) => out.indexOf(`  ${name}. ${text}`))
    expect(places.length).toBeGreaterThan(5)
    expect(places).toEqual([...places].sort((left, right) => left - right))
    for (const { source } of data.cautions) expect(out).toContain(source)
    const lines = out.trimEnd().split('\n')
    expect(lines.at(-3)).toBe(AUTHORITY_IS_NOT_SAFETY)
    expect(lines.at(-1)).toBe(INVENTED)
  })

  it('[CL16] that everything is invented is said only where the file says so', () => {
    const { invented: _invented, ...real } = JSON.parse(readFileSync(DEMO, 'utf8')) as { invented: boolean }
    const path = fileWith(JSON.stringify(real))
    expect(answered('ask', path, ...FELLING)).not.toContain(INVENTED)
    expect(json('ask', path, ...FELLING)).not.toHaveProperty('invented')
  })

  it('[CL17] a company says who supervises whom, and what is short', () => {
    const tree = ['--item', 'i-c-04-tree-1', ...DEMO_DAY]
    const served = answered('ask', DEMO, ...tree, '--company', 'p-siobhan-o-briain,p-wulandari')
    expect(served).toContain('From 4 to 5 June 2027: Siobhán Ó Briain supervises Wulandari.')
    const short = answered('ask', DEMO, ...tree, '--company', 'p-wulandari')
    expect(short).toContain('short by 1: Wulandari needs a supervisor, and nobody here may supervise.')
    expect(short).toContain('On their own: nobody in this company.')
    const asked = answered('ask', DEMO, ...tree, '--person', 'p-wulandari', '--company', 'p-siobhan-o-briain')
    expect(asked).toContain('  On their own: Siobhán Ó Briain.\n  Under supervision: Wulandari')
    expect(asked).not.toContain('nobody needs a supervisor')
  })

  it('[CL7] a text of the record cannot pass for a line of the answer', () => {
    const text = readFileSync(DEMO, 'utf8').replaceAll(
      'no side-hill felling until seen again',
      'none\\n\\nOn their own: 59',
    )
    const spoofed = answered('ask', fileWith(text), ...FELLING)
    expect(spoofed).toContain('“none On their own: 59”')
    expect(spoofed).not.toMatch(/^On their own: 59/m)
  })
})

describe('the heads of an answer', () => {
  it('[CL14] counts those who may on some of the days', () => {
    expect(answered('ask', DEMO, ...FELLING)).toMatch(
      /^No, and why: 49 \(\d+ of them on some of the days\)$/m,
    )
  })

  it('[CL14] an item without a rating is headed as not rated', () => {
    const days = ['--from', '2027-06-07', '--through', '2027-06-10', ...DEMO_DAY]
    const [head] = answered('ask', DEMO, '--item', 'i-unrated-log', ...days).split('\n')
    expect(head).toContain('not rated')
    expect(head).not.toContain('as its ratings say')
  })

  it('[CL11] says where today lies before the last entry', () => {
    const early = [...FELLING.slice(0, -2), '--today', '2027-05-02']
    const said = 'Today lies before the last entry, which is of 3 May 2027.'
    expect(answered('ask', DEMO, ...early)).toContain(said)
    expect(answered('ask', DEMO, ...FELLING)).not.toContain(said)
  })
})

describe('explain', () => {
  it('[CL16] shows the cautions of the work', () => {
    const out = answered('explain', DEMO, ...FELLING, '--person', 'p-lukasz-wrzos')
    const [caution] = json('ask', DEMO, ...FELLING).cautions
    expect(out).toContain(`  ${caution!.name}. ${caution!.text}`)
  })

  it('[CL18] names every requirement with rule, source and mark, and every record with who recorded it', () => {
    const out = answered('explain', DEMO, ...FELLING, '--person', 'p-lukasz-wrzos')
    expect(out).toContain('Card K-0431 decides, as level B of the governing book.')
    expect(out).toMatch(
      /- The last day of CPR is 11 July 2027\.\n +rule certificate\.cpr \(80 FR 34610.*; published\)\n +record certificates\//,
    )
    expect(out).toMatch(
      /\+ The card is in force from 14 April 2025 through 13 April 2028\.\n +rule card\.days/,
    )
    expect(out).toMatch(
      /record certificates\/\S+: CPR of .*\(entry 61, Inês Caldwell-Moraes, crew coordinator, 14 April 2027, 16:40 UTC; corrects what entry \d+ recorded\)/,
    )
    expect(out).toContain('record cards/k-0431-1, as above')
    expect(out.trimEnd().split('\n').at(-3)).toBe(AUTHORITY_IS_NOT_SAFETY)
  })

  it('[CL18] says what speaks where no card does, and what the other cards give', () => {
    const learner = answered(
      'explain',
      DEMO,
      '--item',
      'i-c-02-log-1',
      '--person',
      'p-idris-penhallow',
      ...DEMO_DAY,
    )
    expect(learner).toContain('A training assignment decides.')
    const nobody = answered('explain', DEMO, ...FELLING, '--person', 'p-wiremu-hakaraia')
    expect(nobody).toMatch(/No card and no training assignment speaks for this work\.|decides\./)
    const two = answered('explain', DEMO, ...FELLING, '--person', 'p-siobhan-o-briain')
    expect(two).toContain('What else is on record, and gives no more')
  })
})

describe('answers as data', () => {
  let isValid: (data: unknown) => boolean
  let errors: () => unknown

  beforeAll(() => {
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
      JSON.parse(readFileSync(SCHEMA, 'utf8')) as object,
    )
    isValid = (data) => validate(data)
    errors = () => validate.errors
  })

  it('[CL19] the schema that is published is the one answers are written from', () => {
    expect(JSON.parse(readFileSync(SCHEMA, 'utf8'))).toEqual(JSON.parse(JSON.stringify(answerJsonSchema())))
  })

  it.each([
    ['ask', FELLING],
    ['ask', [...FELLING, '--place', 'lantern-creek', '--species', 'tall fir', '--hands', 'one']],
    ['ask', [...FELLING, '--known-at', '30', '--person', 'p-lukasz-wrzos']],
    ['ask', [...FELLING, '--saw', 'chain-saw']],
    ['ask', ['--item', 'i-unrated-log', '--from', '2027-06-07', '--through', '2027-06-10', ...DEMO_DAY]],
    ['ask', ['--item', 'i-north-rim-photo', ...DEMO_DAY]],
    ['ask', ['--item', 'x-h-17-lantern', ...DEMO_DAY]],
    [
      'ask',
      [
        '--item',
        'i-c-04-tree-1',
        '--company',
        'p-siobhan-o-briain,p-wulandari,p-mbali-kamabaso',
        ...DEMO_DAY,
      ],
    ],
    [
      'ask',
      [
        '--work',
        'bucking',
        '--diameter',
        '30',
        '--complexity',
        'least',
        '--from',
        '2012-01-01',
        '--through',
        '2020-06-01',
        ...DEMO_DAY,
      ],
    ],
    ['explain', [...FELLING, '--person', 'p-lukasz-wrzos']],
    ['explain', ['--item', 'i-c-02-log-1', '--person', 'p-idris-penhallow', ...DEMO_DAY]],
    ['explain', [...FELLING, '--person', 'p-tavi-marrowby']],
  ] as const)('[CL19] %s %j is valid by it', (command, words) => {
    const data = json(command, DEMO, ...words)
    expect(isValid(data), JSON.stringify(errors())).toBe(true)
    expect(data.notice).toBe(AUTHORITY_IS_NOT_SAFETY)
    expect(data.invented).toBe(true)
  })

  it('[CL19] an answer with another key, or without a reason’s rule, is not valid by it', () => {
    const data = json('ask', DEMO, ...FELLING)
    expect(isValid({ ...data, more: 1 })).toBe(false)
    const [answer] = data.answers.filter(({ findings }) => findings.length > 0)
    const keys = Object.entries(answer!.findings[0]!).filter(([key]) => key !== 'rule')
    const finding = Object.fromEntries(keys)
    expect(isValid({ ...data, answers: [{ ...answer, findings: [finding] }] })).toBe(false)
  })

  it('[CL19] says what the text says', () => {
    const { answers, question, today, knownAt, supervisors } = json('ask', DEMO, ...FELLING)
    expect({ question, today, knownAt, supervisors }).toMatchObject({
      question: { first: '2027-07-08', last: '2027-07-15', work: { diameter: 22 } },
      today: '2027-05-03',
      knownAt: { entry: 76, statedAt: '2027-05-03T14:30:00.000Z' },
      supervisors: ['B', 'C'],
    })
    const lukasz = answers.find(({ person }) => person === 'p-lukasz-wrzos')
    expect(lukasz).toMatchObject({
      standing: 'none',
      holdsThrough: '2027-07-11',
      endedBy: { day: '2027-07-12', standing: 'none' },
      spans: [
        { first: '2027-07-08', last: '2027-07-11', standing: 'independent', findings: [] },
        { first: '2027-07-12', last: '2027-07-15', standing: 'none' },
      ],
      findings: [
        {
          kind: 'certificate-lapsed',
          rule: 'certificate.cpr',
          mark: 'published',
          figures: { subject: 'cpr', lastDay: '2027-07-11' },
        },
      ],
      remedies: { sets: [[{ kind: 'renew-certificate', subject: 'cpr', by: '2027-07-12' }]], leaveIt: true },
    })
  })
})
