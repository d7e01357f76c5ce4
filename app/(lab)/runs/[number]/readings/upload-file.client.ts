"use client";

export type UploadAnswer = {
  readonly ok: boolean;
  readonly message: string;
  readonly findings: readonly string[];
};

type Upload = {
  readonly url: string;
  readonly file: File;
  readonly startedAt: string;
  readonly signal: AbortSignal;
  readonly onProgress: (sentBytes: number) => void;
};

const failed = (message: string): UploadAnswer => ({ ok: false, message, findings: [] });

/** Missing on plain http outside of localhost; the announced length still shows a cut then. */
const sha256 = async (file: File): Promise<string | null> => {
  if (!globalThis.crypto?.subtle) return null;
  const digest = await crypto.subtle.digest("SHA-256", await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
};

const readAnswer = (request: XMLHttpRequest): UploadAnswer => {
  try {
    const body = JSON.parse(request.responseText) as { message: string; findings?: string[] };
    return { ok: request.status === 201, message: body.message, findings: body.findings ?? [] };
  } catch {
    return failed("The server gave no readable answer. Reload the page to see what was stored.");
  }
};

/** XMLHttpRequest, because fetch does not tell how much of a body has been sent. */
export const uploadFile = async ({
  url,
  file,
  startedAt,
  signal,
  onProgress,
}: Upload): Promise<UploadAnswer> => {
  const digest = await sha256(file).catch(() => null);
  if (signal.aborted) return failed("The upload was stopped. Nothing was stored.");
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", url);
    request.setRequestHeader("content-type", "text/csv");
    request.setRequestHeader("x-file-name", encodeURIComponent(file.name));
    if (startedAt) request.setRequestHeader("x-started-at", encodeURIComponent(startedAt));
    if (digest) request.setRequestHeader("x-content-sha256", digest);
    request.upload.onprogress = (event) => onProgress(event.loaded);
    request.onload = () => resolve(readAnswer(request));
    request.onerror = () =>
      resolve(failed("The connection was cut on the way. Nothing was stored; send the file again."));
    request.onabort = () => resolve(failed("The upload was stopped. Nothing was stored."));
    signal.addEventListener("abort", () => request.abort());
    request.send(file);
  });
};
