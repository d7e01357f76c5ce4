import type { Metadata, Viewport } from "next";
import localFont from "next/font/local";
import { cookies, headers } from "next/headers";
import type { ReactNode } from "react";
import "@/app/globals.css";
import "@/app/_ui/css/shell.css";
import "@/app/_ui/css/page.css";
import "@/app/_ui/css/table.css";
import "@/app/_ui/css/marks.css";
import "@/app/_ui/css/form.css";
import "@/app/_ui/css/speak.css";
import "@/app/_ui/css/thread.css";
import "@/app/_ui/css/figure.css";
import "@/app/_ui/css/list.css";

const sourceSans = localFont({
  src: [
    { path: "./fonts/source-sans-3-400.woff2", weight: "400", style: "normal" },
    { path: "./fonts/source-sans-3-600.woff2", weight: "600", style: "normal" },
  ],
  variable: "--font-source-sans",
  display: "swap",
});

export const metadata: Metadata = {
  title: { default: "Emfolio", template: "%s · Emfolio" },
  description: "Calibration of thermocouples by comparison: from the order to the certificate.",
  robots: { index: false },
};

export const viewport: Viewport = {
  colorScheme: "light dark",
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#f2f4f3" },
    { media: "(prefers-color-scheme: dark)", color: "#121516" },
  ],
};

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  // Every page carries the nonce of its own request, so no page may be made at build time.
  await headers();
  const theme = (await cookies()).get("theme")?.value;
  return (
    <html
      lang="en"
      className={sourceSans.variable}
      data-theme={theme === "light" || theme === "dark" ? theme : undefined}
      suppressHydrationWarning
    >
      <body>{children}</body>
    </html>
  );
}
