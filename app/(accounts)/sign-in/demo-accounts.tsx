import type { DemoAccount } from '../../../lib/usecases/door/runtime.ts'
import { Section } from '../../_parts/section.tsx'

/** Whom one may be in a demonstration, with the passwords; these accounts exist nowhere else. */
export function DemoAccounts({ accounts }: { accounts: readonly DemoAccount[] }) {
  return (
    <Section
      id="demo-accounts"
      title="Be somebody"
      caption="These accounts exist in a demonstration only. Take any of them."
    >
      <table className="table folds">
        <thead>
          <tr>
            <th scope="col">Sign-in name</th>
            <th scope="col">Password</th>
            <th scope="col">Who that is</th>
          </tr>
        </thead>
        <tbody>
          {accounts.map(({ signInName, password, says }) => (
            <tr key={signInName}>
              <th scope="row">{signInName}</th>
              <td data-head="Password">{password}</td>
              <td data-head="Who that is">{says}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  )
}
