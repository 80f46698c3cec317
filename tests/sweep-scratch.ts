import { askBriefly, openRecords } from '/work/wthree/lib/core/authority/ask.ts'
import { plainAnswer } from '/work/wthree/tests/plain/answer.ts'
import { caseOfSeed } from '/work/wthree/tests/properties/program-generator.ts'
import { canonicalAnswer } from '/work/wthree/tests/properties/canonical.ts'
const from = Number(process.argv[2]), through = Number(process.argv[3])
let differ = 0, answers = 0
for (let seed = from; seed <= through; seed++) {
  const { records, question } = caseOfSeed(seed)
  for (const fast of askBriefly(openRecords(records), question)) {
    answers++
    const a = JSON.stringify(canonicalAnswer(fast)), b = JSON.stringify(canonicalAnswer(plainAnswer(records, question, fast.person)))
    if (a !== b) { differ++; console.log('DIFFER', seed, fast.person); if (differ < 3) console.log(a, '\n', b) }
  }
}
console.log({ from, through, answers, differ })
