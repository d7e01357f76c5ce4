import type { KeyList } from "@/lib/domain/seal/key-list";
import { sha256, toBase64 } from "../bytes";
import { offlineStyle } from "./offline-style";

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** As data inside a script element, which only "</" could end. */
const embedded = (value: unknown): string => JSON.stringify(value).replaceAll("<", "\\u003c");

const hashOf = async (text: string): Promise<string> =>
  `'sha256-${toBase64(await sha256(new TextEncoder().encode(text)))}'`;

/**
 * The whole check as one file. Its own policy lets run this one script and nothing else, and nothing be fetched or
 * sent: whoever reads the source can see that a dropped file stays where it is.
 */
export const offlinePage = async (script: string, keys: KeyList): Promise<string> => {
  const code = script.trim().replaceAll("</script", "<\\/script");
  const policy = `default-src 'none'; script-src ${await hashOf(code)}; style-src ${await hashOf(offlineStyle)}; base-uri 'none'; form-action 'none'`;
  const laboratory = escaped(keys.laboratory);
  const asOf = keys.issuedAt.slice(0, 10);
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>Check a certificate of ${laboratory}</title>
<style>${offlineStyle}</style>
<main>
<h1>Check a certificate of ${laboratory}</h1>
<p>This page works without a network, and sends nothing. It knows the keys of ${laboratory} as of ${asOf}: of keys that were taken up or revoked later it cannot know.</p>
<p><strong>Whether a certificate was replaced or withdrawn, or the laboratory’s log changed since, cannot be known offline.</strong> For that, open the address in the code on its pages.</p>
<div id="drop">
<label for="file">Drop the certificate (PDF) here, or choose it</label>
<input id="file" type="file" accept=".pdf,application/pdf">
<label for="hash">Address or hash in the code on the paper, or the Content SHA-256 at its foot (if you hold it)</label>
<input id="hash" type="text" autocomplete="off" spellcheck="false">
</div>
<div id="answer" aria-live="polite"></div>
<p class="quiet">A page like this can be forged as well as a certificate: take it from the laboratory’s own address, and compare the fingerprint of a key that vouches for itself with the one the laboratory gave you.</p>
</main>
<script type="application/json" id="keys">${embedded(keys)}</script>
<script>${code}</script>
</html>
`;
};
