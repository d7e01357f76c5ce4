import type { ReactNode } from "react";

type Props = { readonly summary: ReactNode; readonly open?: boolean; readonly children: ReactNode };

/** One step further down, without leaving the page. Works without JavaScript. */
export function Disclosure({ summary, open, children }: Props) {
  return (
    <details className="disclosure" open={open}>
      <summary>{summary}</summary>
      <div>{children}</div>
    </details>
  );
}
