"use client";
import { useRouter } from "next/navigation";
import { type FormEvent, useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { FileField } from "@/app/_ui/file-field.client";
import { Notice } from "@/app/_ui/notice";
import { TextField } from "@/app/_ui/text-field.client";
import { readingsLimitBytes } from "@/lib/domain/run/readings-limit";
import css from "../../runs.module.css";
import { type UploadAnswer, uploadFile } from "./upload-file.client";

type Props = {
  readonly run: string;
  /** Only the first file says when its zero was. */
  readonly asksStart: boolean;
};

type State =
  | { readonly kind: "idle" }
  | { readonly kind: "sending"; readonly sent: number; readonly total: number }
  | ({ readonly kind: "answered" } & UploadAnswer);

const tooLarge = (file: File): UploadAnswer => ({
  ok: false,
  message: `“${file.name}” is ${(file.size / 1_048_576).toFixed(1)} MB; at most 64 MB are taken. Split it by time and upload the parts in order. Nothing was sent.`,
  findings: [],
});

/** A readings file with its progress. Without script it is an ordinary form to the same address. */
export function UploadForm({ run, asksStart }: Props) {
  const router = useRouter();
  const [state, setState] = useState<State>({ kind: "idle" });
  const running = useRef<AbortController | null>(null);
  // Leaving the page ends the upload; a cut upload leaves nothing behind.
  useEffect(() => () => running.current?.abort(), []);

  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const file = data.get("file");
    if (!(file instanceof File) || file.name === "") {
      setState({ kind: "answered", ok: false, message: "Choose the scanner's file first.", findings: [] });
      return;
    }
    if (file.size > readingsLimitBytes) {
      setState({ kind: "answered", ...tooLarge(file) });
      return;
    }
    running.current = new AbortController();
    setState({ kind: "sending", sent: 0, total: file.size });
    const answer = await uploadFile({
      url: `/api/runs/${encodeURIComponent(run)}/readings`,
      file,
      startedAt: String(data.get("startedAt") ?? "").trim(),
      signal: running.current.signal,
      onProgress: (sent) => setState({ kind: "sending", sent, total: file.size }),
    });
    setState({ kind: "answered", ...answer });
    if (answer.ok) router.refresh();
  };

  return (
    <form
      className="form"
      method="post"
      encType="multipart/form-data"
      action={`/api/runs/${encodeURIComponent(run)}/readings`}
      onSubmit={send}
      aria-label="Upload readings"
    >
      <FileField
        name="file"
        label="Readings file"
        hint="CSV, at most 64 MB."
        accept=".csv,.txt,text/csv,text/plain"
      />
      {asksStart ? (
        <TextField
          name="startedAt"
          label="Zero of its seconds"
          optional
          placeholder="2026-03-02T09:30:00+01:00"
          hint="Only for a file with time_s: when its second 0 was. Left empty, its last reading is taken to be now."
        />
      ) : null}
      <div className="form-actions">
        {state.kind === "sending" ? (
          <Button type="button" kind="quiet" onClick={() => running.current?.abort()}>
            Stop the upload
          </Button>
        ) : (
          <Button type="submit" kind="primary">
            Upload
          </Button>
        )}
      </div>
      {state.kind === "sending" ? (
        <p role="status">
          <progress className={css.progress} max={state.total} value={state.sent} aria-label="Sent so far" />{" "}
          {state.sent < state.total
            ? `${(state.sent / 1_048_576).toFixed(1)} of ${(state.total / 1_048_576).toFixed(1)} MB sent`
            : "Sent. The readings are being checked and stored."}
        </p>
      ) : null}
      {state.kind === "answered" ? (
        <div role={state.ok ? "status" : "alert"}>
          <Notice kind={state.ok ? "done" : "danger"} title={state.ok ? "Stored" : "Not stored"}>
            {state.message}
            {state.findings.length > 0 ? (
              <ul>
                {state.findings.map((finding) => (
                  <li key={finding}>{finding}</li>
                ))}
              </ul>
            ) : null}
          </Notice>
        </div>
      ) : null}
    </form>
  );
}
