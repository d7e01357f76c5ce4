"use client";
import { Button } from "@/app/_ui/button";

type Props = { readonly error: Error & { readonly digest?: string }; readonly reset: () => void };

/** The text of an unexpected error stays on the server; the digest finds it in the log. */
export default function ErrorPage({ error, reset }: Props) {
  return (
    <div className="page">
      <header className="page-head">
        <h1>Something failed on our side</h1>
        <p className="page-lead">
          What you last sent was either saved whole or not at all; what was recorded before is as it was. Try
          again; if it fails again, tell the laboratory
          {error.digest ? ` the number ${error.digest}` : " when it happened"}.
        </p>
        <div className="row">
          <Button kind="primary" onClick={reset}>
            Try again
          </Button>
          <a href="/">To the first page</a>
        </div>
      </header>
    </div>
  );
}
