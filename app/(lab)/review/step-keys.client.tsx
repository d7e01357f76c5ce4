"use client";
import { useRouter } from "next/navigation";
import { useEffect } from "react";

type Props = {
  /** Key → page. */
  readonly pages?: Readonly<Record<string, string | null>>;
  /** j and k move the focus through the links marked `data-step`. */
  readonly steps?: boolean;
};

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest("input, textarea, select, [contenteditable]") !== null;

/** Keys for the signatory's table. Only conveniences: each page they lead to is a plain link as well. */
export function StepKeys({ pages, steps }: Props) {
  const router = useRouter();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const page = pages?.[event.key];
      if (page) router.push(page);
      if (!steps || (event.key !== "j" && event.key !== "k")) return;
      const links = [...document.querySelectorAll<HTMLElement>("[data-step]")];
      const at = links.indexOf(document.activeElement as HTMLElement);
      const next = event.key === "j" ? at + 1 : at < 0 ? links.length - 1 : at - 1;
      links[Math.min(Math.max(next, 0), links.length - 1)]?.focus();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [pages, steps, router]);
  return null;
}
