import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";

/** Debian's libpdfbox2-java with libactivation-java and libjaxb-api-java. */
const folder = "/usr/share/java";
const archives = [
  "preflight.jar",
  "pdfbox2.jar",
  "fontbox2.jar",
  "xmpbox.jar",
  "commons-logging.jar",
  "javax.activation.jar",
  "jaxb-api.jar",
].map((name) => path.join(folder, name));

export const canPreflight =
  archives.every((archive) => existsSync(archive)) &&
  spawnSync("java", ["-version"], { stdio: "ignore" }).status === 0;

export const withoutPreflight =
  "Debian's PDFBox preflight (libpdfbox2-java, libactivation-java, libjaxb-api-java) is not installed here";

/** What it finds against PDF/A-1b, the only form it knows: "3.1.11 : Invalid Font definition, …". */
export const preflight = (file: string): readonly string[] => {
  const { stdout, stderr } = spawnSync(
    "java",
    ["-Xshare:auto", "-cp", archives.join(":"), "org.apache.pdfbox.preflight.Validator_A1b", file],
    { encoding: "utf8", timeout: 60_000 },
  );
  if (/is a valid PDF\/A-1b file/.test(stdout)) return [];
  const found = stdout.split("\n").filter((line) => /^\d+(\.\d+)* : /.test(line));
  if (found.length === 0)
    throw new Error(`The preflight said nothing that is understood: ${stdout}${stderr}`);
  return found;
};
