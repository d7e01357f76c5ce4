import { build } from "esbuild";
import { checkout, inCheckout } from "@/lib/commands/checkout";

/** The check and its small page as one script, for browsers of the last years. */
export async function bundleOfflineCheck(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [inCheckout("lib", "documents", "authenticity", "offline", "main.ts")],
    absWorkingDir: checkout,
    bundle: true,
    write: false,
    minify: true,
    format: "iife",
    platform: "browser",
    target: "es2022",
    legalComments: "inline",
    charset: "utf8",
    logLevel: "error",
  });
  return outputFiles[0]!.text;
}
