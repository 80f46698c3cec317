import '@fontsource-variable/commissioner/flar.css'
import '@fontsource-variable/literata/opsz.css'
import '@fontsource-variable/literata/opsz-italic.css'
import './_look/tokens.css'
import './_look/ground.css'
import './_look/parts.css'
import './_look/forms.css'
import './_look/tables.css'
import './_look/books.css'
import './_look/records.css'
import './_look/lines.css'
import './_look/question.css'
import './_look/answer.css'
import './_look/reasons.css'
import './_look/people.css'
import './_look/accounts.css'
import type { Metadata, Viewport } from 'next'
import { headers } from 'next/headers'
import type { ReactNode } from 'react'
import { runtime } from '../lib/usecases/door/runtime.ts'
import { InventedNotice } from './_parts/invented-notice.tsx'

export const metadata: Metadata = {
  title: { template: '%s · Kerfbook', default: 'Kerfbook' },
  description: 'Who may buck and fell, on which days, and why.',
  robots: { index: false, follow: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fbfbf8' },
    { media: '(prefers-color-scheme: dark)', color: '#14181a' },
  ],
}

/** The root of every page. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  // Asking for the headers makes every page be drawn for its request: a page made beforehand has no nonce, and under
  // the policy its scripts would not run.
  await headers()
  return (
    <html lang="en">
      <body>
        <a className="skip" href="#page">
          To the page
        </a>
        {runtime().demo ? <InventedNotice /> : null}
        {children}
      </body>
    </html>
  )
}
