/** The headers of every answer, pages and files alike; the policy for content is apart, it changes with each page. */
export function securityHeaders(isHttps: boolean): readonly (readonly [string, string])[] {
  return [
    ['X-Content-Type-Options', 'nosniff'],
    ['X-Frame-Options', 'DENY'],
    ['Referrer-Policy', 'same-origin'],
    ['Cross-Origin-Opener-Policy', 'same-origin'],
    ['Cross-Origin-Resource-Policy', 'same-origin'],
    ['Origin-Agent-Cluster', '?1'],
    ['X-DNS-Prefetch-Control', 'off'],
    ['X-Permitted-Cross-Domain-Policies', 'none'],
    [
      'Permissions-Policy',
      'accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), microphone=(), payment=(), usb=()',
    ],
    ['Content-Security-Policy', POLICY_WITHOUT_PAGE],
    ...(isHttps ? [['Strict-Transport-Security', 'max-age=63072000; includeSubDomains'] as const] : []),
  ]
}

/** The policy of what is no page: nothing in it runs, loads or is framed. */
const POLICY_WITHOUT_PAGE = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

/**
 * The policy of one page: only scripts with the nonce of this request run, and what they load; styles, fonts and
 * pictures come from here.
 * @param nonce random, new for each request
 */
export function pagePolicy(nonce: string, isHttps: boolean): string {
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}' 'strict-dynamic'${process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    "manifest-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
    "object-src 'none'",
    ...(isHttps ? ['upgrade-insecure-requests'] : []),
  ].join('; ')
}
