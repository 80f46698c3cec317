import { addressWord, type AddressWords } from '../../_parts/address.ts'

/** By what the list may be filtered: the names in the address, and what they are called. */
export const ACCOUNT_LABELS = { name: 'Name', role: 'Role', state: 'How it stands' } as const
export const ACCOUNT_FILTERS = Object.keys(ACCOUNT_LABELS)

/** The filters that the address sets, of those named. */
export function accountsInput(words: AddressWords, names: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    names.flatMap((name) => {
      const typed = addressWord(words, name)
      return typed === undefined ? [] : [[name, typed] as const]
    }),
  )
}
