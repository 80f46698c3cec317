import type { ReactNode } from 'react'
import type { Visitor } from '../_door/visitor.ts'
import { Frame } from './frame.tsx'
import { Rooms } from './rooms.tsx'
import { Who } from './who.tsx'

/** A page for somebody who is signed in. */
export function DeskPage({ visitor, children }: { visitor: Visitor; children: ReactNode }) {
  return (
    <Frame program={visitor.program} who={<Who visitor={visitor} />} rooms={<Rooms visitor={visitor} />}>
      {children}
    </Frame>
  )
}
