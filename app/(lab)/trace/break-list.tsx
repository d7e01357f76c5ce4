import { Notice } from "@/app/_ui/notice";
import type { ChainBreak } from "@/lib/domain/trace/find-breaks";

/** What does not hold, before anything else is read. */
export function BreakList({ breaks }: { readonly breaks: readonly ChainBreak[] }) {
  if (breaks.length === 0) return null;
  return (
    <Notice kind="caution">
      <ul className="plain-list">
        {breaks.map(({ code, key, title, text }) => (
          <li key={`${code} ${key} ${text}`}>
            {title}: {text}.
          </li>
        ))}
      </ul>
    </Notice>
  );
}
