import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { mono, sans, serif } from "./design/fonts.ts";
import { SiteHeader } from "./design/site-header.tsx";
import "./globals.css";

export const metadata: Metadata = {
  title: { default: "Ductmend", template: "%s · Ductmend" },
  description:
    "From a duct test reading to a sealing scope, a proposal a homeowner understands, and a result anyone can recompute.",
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#faf7f0" },
    { media: "(prefers-color-scheme: dark)", color: "#141c22" },
  ],
};

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en-US" className={`${sans.variable} ${mono.variable} ${serif.variable}`} suppressHydrationWarning>
      <head>
        {/* Sets the chosen theme before the first paint; anything later would flash. */}
        <script src="/theme.js" />
      </head>
      <body>
        <SiteHeader />
        <main id="main" tabIndex={-1}>
          {children}
        </main>
      </body>
    </html>
  );
}
