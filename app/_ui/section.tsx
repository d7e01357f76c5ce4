import type { ReactNode } from "react";

type Props = {
  readonly title: ReactNode;
  readonly id?: string;
  /** Small words under the heading: how many, since when, what it means. */
  readonly note?: ReactNode;
  readonly actions?: ReactNode;
  /** Heading above instead of in the margin, for tables that need the whole width. */
  readonly wide?: boolean;
  readonly children: ReactNode;
};

export function Section({ title, id, note, actions, wide, children }: Props) {
  return (
    <section className={wide ? "section section-wide" : "section"} id={id}>
      <div className="section-head">
        <h2>{title}</h2>
        {note ? <div className="section-note">{note}</div> : null}
        {actions ? <div className="row">{actions}</div> : null}
      </div>
      <div className="section-body">{children}</div>
    </section>
  );
}
