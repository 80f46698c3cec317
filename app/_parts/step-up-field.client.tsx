'use client'

import { PasswordField } from './fields.client.tsx'
import { useFormStanding } from './form.client.tsx'
import { OWN_PASSWORD } from './own-password.ts'

/** The password again, where it was given more than five minutes ago: when the page was drawn, or when it was sent. */
export function StepUpField({ isAsked }: { isAsked: boolean }) {
  const { state } = useFormStanding()
  if (!isAsked && state.wantsPassword !== true) return null
  return (
    <PasswordField
      name={OWN_PASSWORD.name}
      label={OWN_PASSWORD.label}
      hint="You gave it more than five minutes ago, and this cannot be taken back."
      autoComplete="current-password"
    />
  )
}
