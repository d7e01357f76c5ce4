import { readTypedHash } from "@/lib/domain/authenticity/typed-hash";
import { KeyList } from "@/lib/domain/seal/key-list";
import { sha256, toHex } from "../bytes";
import { checkFile } from "../check-file";
import { carriedEvidence } from "../numbers/carried-evidence";
import { wholeVerdict } from "../whole-verdict";
import { element } from "./element";
import { numbersPart } from "./numbers-part";
import { showVerdict } from "./show-verdict";

/** The script of the page that somebody keeps: no network, no laboratory, the keys as they were when it was made. */

const part = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`This page has no ${id}.`);
  return found;
};

const keys = KeyList.parse(JSON.parse(part("keys").textContent ?? ""));
const answer = part("answer");
const typedHash = part("hash") as HTMLInputElement;
const chosen = part("file") as HTMLInputElement;
const frame = part("drop");

const check = async (file: File): Promise<readonly HTMLElement[]> => {
  if (!globalThis.crypto?.subtle)
    throw new Error("this browser offers no cryptography to pages opened from a file; use another one.");
  const bytes = new Uint8Array(await file.arrayBuffer());
  const verdict = await checkFile(bytes, { keys, now: new Date() });
  const whole = wholeVerdict(verdict, {
    fileSha256: toHex(await sha256(bytes)),
    paperHash: readTypedHash(typedHash.value),
    token: null,
    host: null,
    status: null,
    keys,
  });
  const shown = showVerdict(file.name, whole, verdict);
  return verdict.verdict === "total-passed" && verdict.content
    ? [shown, numbersPart(verdict.content, carriedEvidence(verdict))]
    : [shown];
};

let last: File | undefined;

const take = async (file: File | undefined): Promise<void> => {
  if (!file) return;
  last = file;
  answer.replaceChildren(element("p", {}, `Checking ${file.name} …`));
  const shown = await check(file).catch((error: unknown) => [
    element("p", { class: "problem" }, `${file.name} could not be checked: ${String(error)}`),
  ]);
  answer.replaceChildren(...shown);
};

chosen.addEventListener("change", () => void take(chosen.files?.[0]));
typedHash.addEventListener("change", () => void take(last));
frame.addEventListener("dragover", (event) => event.preventDefault());
frame.addEventListener("drop", (event) => {
  event.preventDefault();
  void take(event.dataTransfer?.files[0]);
});
