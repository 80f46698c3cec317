/** What a page says that could not be made; the same words with scripts, without, and where nothing else is left. */
export const BROKEN_TITLE = 'Something broke on our side'

/** What became of what was sent: every command is one transaction. */
export const BROKEN_LEAD = 'Nothing that you sent was half done: it was saved whole or not at all.'

/** What to do with the number that follows. */
export const BROKEN_NUMBER = 'If it stays, tell whoever looks after this Kerfbook the number of this error:'

/** Where it broke in the browser, so that no log has a number for it. */
export const BROKEN_HERE = 'It broke in this browser, so there is no number for it. Load the page again.'
