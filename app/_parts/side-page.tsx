import type { ReactNode } from 'react'
import { signedIn } from '../_door/visitor.ts'
import { DeskPage } from './desk-page.tsx'
import { Frame } from './frame.tsx'

/** A page that stands in the place of another: whoever is signed in keeps the way to the rooms. */
export async function SidePage({ children }: { children: ReactNode }) {
  const visitor = await signedIn()
  // It lies in no room, so none is marked.
  return visitor === undefined ? (
    <Frame>{children}</Frame>
  ) : (
    <DeskPage visitor={{ ...visitor, at: '' }}>{children}</DeskPage>
  )
}
