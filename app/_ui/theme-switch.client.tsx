"use client";
import { useEffect, useState } from "react";

const themes = ["auto", "light", "dark"] as const;
type Theme = (typeof themes)[number];
const words: Readonly<Record<Theme, string>> = { auto: "as the system", light: "light", dark: "dark" };

const current = (): Theme => {
  const value = document.documentElement.dataset.theme;
  return value === "light" || value === "dark" ? value : "auto";
};

/** Light, dark, or as the system says. Kept in a cookie, so that the server renders the right one at once. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState<Theme>("auto");
  useEffect(() => setTheme(current()), []);

  const turn = () => {
    const next = themes[(themes.indexOf(current()) + 1) % themes.length] ?? "auto";
    if (next === "auto") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = next;
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is not in every browser
    document.cookie = `theme=${next}; path=/; max-age=31536000; samesite=lax`;
    setTheme(next);
  };

  return (
    <button type="button" className="plain-button" onClick={turn}>
      Colours: {words[theme]}
    </button>
  );
}
