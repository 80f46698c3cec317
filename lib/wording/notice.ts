/** Stands by every answer, always. */
export const AUTHORITY_IS_NOT_SAFETY =
  'Authority is not safety. This says who may, not that anything should be cut.'

/** Stands beside it: whose word goes before the program's. */
export const LOCAL_RULES_FIRST =
  'Local rules, the land manager and qualified people at the log or tree come first. Walking away is always open.'

/** Stands by answers from a program whose people and places are made up. */
export const INVENTED = 'Everything in this program is invented: its places and its people do not exist.'

/** Stands by every rating of complexity. */
export const NO_PUBLISHED_RATING =
  'No published numeric rating of complexity exists. The size-up at the log or tree overrules this one.'
