import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

const family = "Source Sans 3";
const folder = join(process.cwd(), "node_modules", "@expo-google-fonts", "source-sans-3");

let isRegistered = false;

const register = (): void => {
  Font.register({
    family,
    fonts: [
      { src: join(folder, "400Regular", "SourceSans3_400Regular.ttf"), fontWeight: 400 },
      { src: join(folder, "600SemiBold", "SourceSans3_600SemiBold.ttf"), fontWeight: 600 },
    ],
  });
  Font.registerHyphenationCallback((word) => [word]);
  isRegistered = true;
};

/**
 * The family of every document. Local TrueType files: a fetched font would make the bytes depend on the network, and
 * woff2 crashes on accents. No hyphenation: a serial number must never be broken.
 */
export const documentFont = (): string => {
  if (!isRegistered) register();
  return family;
};

/** The same family with font objects of its own, which no earlier document has used. */
export const registerAnew = (): void => {
  Reflect.deleteProperty(Font.getRegisteredFonts(), family);
  register();
};
