/** The version of the rules of computation: within one, an answer to the same facts is always the same. */
export const ENGINE_VERSION = '1'
