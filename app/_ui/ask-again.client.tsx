"use client";
import { useRouter } from "next/navigation";
import { useEffect } from "react";

const milliseconds = 3_000;
/** Then whoever waits reloads by hand: what takes longer has failed, and the page says so. */
const times = 40;

/** Reads the page anew while something on it is being made. Without a script, reloading does the same. */
export function AskAgain() {
  const router = useRouter();
  useEffect(() => {
    let left = times;
    const timer = setInterval(() => {
      left -= 1;
      if (left <= 0) clearInterval(timer);
      if (document.visibilityState === "visible") router.refresh();
    }, milliseconds);
    return () => clearInterval(timer);
  }, [router]);
  return null;
}
