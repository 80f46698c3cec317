/** @type {import('next').NextConfig} */
const config = {
  // Tests build into a folder of their own: a rebuild under a running app breaks it.
  distDir: process.env['KERFBOOK_DIST'] ?? '.next',
  reactStrictMode: true,
  poweredByHeader: false,
  agentRules: false,
  // Packages with native parts, or that must exist once in the process.
  serverExternalPackages: [
    'pg',
    'pino',
    'exceljs',
    'yauzl',
    'rate-limiter-flexible',
    '@node-rs/argon2',
    '@prisma/client',
    '@prisma/adapter-pg',
  ],
  // The types gate checks the whole repository; a config that extends is one Next leaves as it is.
  typescript: { tsconfigPath: 'tsconfig.app.json', ignoreBuildErrors: true },
  experimental: {
    serverActions: { bodySizeLimit: '10mb' },
    // A page that refuses answers 403, with app/forbidden.tsx.
    authInterrupts: true,
  },
}

export default config
