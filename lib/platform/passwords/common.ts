/**
 * Beginnings and words of which the passwords are made that are tried first. A password of fifteen characters that is
 * one of them over and over, or a run along the keyboard, the alphabet or the numbers, is no better than a short one.
 * From memory: the usual heads of published lists.
 */
export const COMMON_WORDS: readonly string[] = [
  ...[
    'password',
    'passwort',
    'contrasena',
    'motdepasse',
    'passw0rd',
    'letmein',
    'welcome',
    'changeme',
    'admin',
  ],
  ...[
    'administrator',
    'login',
    'iloveyou',
    'monkey',
    'dragon',
    'sunshine',
    'princess',
    'football',
    'baseball',
  ],
  ...[
    'superman',
    'batman',
    'trustno1',
    'master',
    'shadow',
    'michael',
    'jordan',
    'secret',
    'default',
    'whatever',
  ],
  ...['kerfbook', 'crosscut', 'sawyer', 'bucking', 'felling', 'chainsaw'],
]

/** Rows of keys and other orders along which a hand runs. */
export const RUNS: readonly string[] = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890123456789',
  'qwertyuiopasdfghjklzxcvbnm',
  'qwertzuiopasdfghjklyxcvbnm',
  'azertyuiopqsdfghjklmwxcvbn',
  '1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p',
]
