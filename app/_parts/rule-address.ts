/** Where on the page of its edition a rule stands. */
export function ruleAnchor(rule: string): string {
  return `rule-${rule}`
}

/** The address of a rule in its edition. */
export function ruleAddress({ edition, rule }: { edition: string; rule: string }): string {
  return `/rulebooks/${encodeURIComponent(edition)}#${encodeURIComponent(ruleAnchor(rule))}`
}
