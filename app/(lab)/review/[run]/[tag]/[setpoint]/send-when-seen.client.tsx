"use client";
import { useEffect, useRef } from "react";

/**
 * Sends the form around it once the page is painted and in view, so that what was prefetched or lies in a tab behind is not
 * taken for looked at. Without JavaScript the form's own button does it.
 */
export function SendWhenSeen() {
  const mark = useRef<HTMLSpanElement>(null);
  const isSent = useRef(false);
  useEffect(() => {
    const send = () => {
      if (isSent.current || document.visibilityState !== "visible") return;
      requestAnimationFrame(() => {
        if (isSent.current) return;
        isSent.current = true;
        mark.current?.closest("form")?.requestSubmit();
      });
    };
    send();
    document.addEventListener("visibilitychange", send);
    return () => document.removeEventListener("visibilitychange", send);
  }, []);
  return <span ref={mark} hidden />;
}
