export type FormUpload =
  | {
      readonly ok: true;
      readonly bytes: Uint8Array;
      readonly fileName: string | null;
      readonly startedAt: string | undefined;
    }
  | { readonly ok: false; readonly status: number; readonly message: string };

/** A form without script: the file and its moment as parts of the body, which has come whole. */
export const readFormUpload = async (body: Uint8Array, contentType: string): Promise<FormUpload> => {
  const form = await new Response(new Uint8Array(body), { headers: { "content-type": contentType } })
    .formData()
    .catch(() => null);
  const file = form?.get("file");
  if (!form || !(file instanceof File) || file.name === "")
    return { ok: false, status: 422, message: "No file came with the form. Choose one and send it again." };
  const startedAt = form.get("startedAt");
  return {
    ok: true,
    bytes: new Uint8Array(await file.arrayBuffer()),
    fileName: file.name,
    startedAt: typeof startedAt === "string" && startedAt !== "" ? startedAt : undefined,
  };
};

const escaped = (text: string): string =>
  text.replace(
    /[&<>"]/g,
    (char) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[char] ?? char,
  );

const page = (message: string, findings: readonly string[], number: string): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Readings</title><main><p role="status">${escaped(message)}</p><ul>${findings
    .map((finding) => `<li>${escaped(finding)}</li>`)
    .join("")}</ul><p><a href="/runs/${encodeURIComponent(number)}">Back to the run</a></p></main></html>`;

/** The same answer for the page's script (JSON) and for a form without script (a plain page with the way back). */
export const uploadAnswer =
  (isForm: boolean, number: string) =>
  (status: number, message: string, findings: readonly string[] = []): Response => {
    const headers = { "cache-control": "no-store", ...(status === 413 ? { connection: "close" } : {}) };
    return isForm
      ? new Response(page(message, findings, number), {
          status,
          headers: {
            ...headers,
            "content-type": "text/html; charset=utf-8",
            "content-security-policy": "default-src 'none'",
          },
        })
      : Response.json({ message, findings }, { status, headers });
  };
