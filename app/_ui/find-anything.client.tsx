"use client";
import { useEffect, useRef } from "react";

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest("input, textarea, select, [contenteditable]") !== null;

/** One box for everything: a plain form to /search, and the key / leads into it. */
export function FindAnything() {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target))
        return;
      event.preventDefault();
      box.current?.focus();
      box.current?.select();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, []);
  return (
    <search className="find-box">
      <form action="/search" method="get">
        <label htmlFor="find-anything">
          Find{" "}
          <span aria-hidden="true">
            <kbd>/</kbd>
          </span>
        </label>
        <input
          ref={box}
          id="find-anything"
          className="input"
          name="q"
          type="search"
          maxLength={120}
          autoComplete="off"
          aria-keyshortcuts="/"
          placeholder="Serial or order"
        />
      </form>
    </search>
  );
}
