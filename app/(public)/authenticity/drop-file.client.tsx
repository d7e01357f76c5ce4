"use client";
import { type DragEvent, useState } from "react";

type Props = { readonly onFile: (file: File) => void; readonly isBusy: boolean };

/** A file by hand, by keyboard or dropped: the whole frame takes it. */
export function DropFile({ onFile, isBusy }: Props) {
  const [isOver, setOver] = useState(false);
  const over = (event: DragEvent) => {
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file) onFile(file);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is one more way beside the field inside, which takes keys
    <div
      className="drop"
      data-over={isOver ? "yes" : undefined}
      onDragOver={over}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label htmlFor="certificate-file">
        <strong>Drop the certificate (PDF) here</strong>, or choose it:
      </label>
      <input
        id="certificate-file"
        type="file"
        className="input"
        accept=".pdf,application/pdf"
        disabled={isBusy}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          // Emptied, so that the same file, saved anew, can be chosen again.
          event.currentTarget.value = "";
          if (file) onFile(file);
        }}
      />
    </div>
  );
}
