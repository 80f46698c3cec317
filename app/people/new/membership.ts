/** The name under which the first membership stands in the form of somebody new, as in the input of its use case. */
export const MEMBERSHIP = 'membership'
