import type { ReactNode } from "react";
import { Shape } from "@/app/_ui/shape";

const kinds = {
  info: { word: "Note", shape: "ring" },
  caution: { word: "Caution", shape: "triangle" },
  danger: { word: "Danger", shape: "square" },
  done: { word: "Done", shape: "disc" },
} as const;

type Props = {
  readonly kind: keyof typeof kinds;
  /** Replaces the word: "Danger: 1200 °C". Keep the word of the kind in it. */
  readonly title?: ReactNode;
  readonly children: ReactNode;
};

/** Something a person must read before going on. Danger and caution are for hands and for evidence, not for news. */
export function Notice({ kind, title, children }: Props) {
  return (
    <aside className="notice" data-kind={kind} aria-label={kinds[kind].word}>
      <Shape name={kinds[kind].shape} />
      <div className="notice-body">
        <p className="notice-word">{title ?? kinds[kind].word}</p>
        <div>{children}</div>
      </div>
    </aside>
  );
}
