import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

const family = "Source Sans 3";
const folder = join(process.cwd(), "node_modules", "@expo-google-fonts", "source-sans-3");

let isRegistered = false;

/**
 * The family of every document. Local TrueType files: a fetched font would make the bytes depend on the network, and
 * woff2 crashes on accents. No hyphenation: a serial number must never be broken.
 */
export const documentFont = (): string => {
  if (isRegistered) return family;
  Font.register({
    family,
    fonts: [
      { src: join(folder, "400Regular", "SourceSans3_400Regular.ttf"), fontWeight: 400 },
      { src: join(folder, "600SemiBold", "SourceSans3_600SemiBold.ttf"), fontWeight: 600 },
    ],
  });
  Font.registerHyphenationCallback((word) => [word]);
  isRegistered = true;
  return family;
};
