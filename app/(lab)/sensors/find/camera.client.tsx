"use client";
import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { codeReader } from "./code-reader.client";

const refusals: Readonly<Record<string, string>> = {
  NotAllowedError:
    "The browser may not use the camera here. Allow it in the address bar, then load the page again.",
  NotFoundError: "There is no camera here. Scan or type above.",
  NotReadableError: "Another program has the camera. Close it, then load the page again.",
};

const wordsOf = (error: unknown): string =>
  (error instanceof DOMException && refusals[error.name]) ||
  "The camera cannot be used: it needs https, or this computer itself. Scan or type above.";

/** Looks for a code picture by picture; no picture leaves the browser. */
export function Camera() {
  const router = useRouter();
  const video = useRef<HTMLVideoElement>(null);
  const [message, setMessage] = useState("Hold the label in front of the camera.");

  useEffect(() => {
    let stream: MediaStream | null = null;
    let isOver = false;
    const stop = () => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    const look = async (read: (video: HTMLVideoElement) => Promise<string | null>) => {
      if (isOver || !video.current) return;
      const text = await read(video.current).catch(() => null);
      if (isOver) return;
      if (text === null) requestAnimationFrame(() => void look(read));
      else router.push(`/sensors/find?q=${encodeURIComponent(text.slice(0, 300))}`);
    };
    const start = async () => {
      try {
        stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
        if (isOver || !video.current) {
          stop();
          return;
        }
        video.current.srcObject = stream;
        await video.current.play();
        await look(await codeReader());
      } catch (error) {
        if (!isOver) setMessage(wordsOf(error));
      }
    };
    void start();
    return () => {
      isOver = true;
      stop();
    };
  }, [router]);

  return (
    <>
      <p role="status">{message}</p>
      <video
        ref={video}
        muted
        playsInline
        width="320"
        height="240"
        style={{ maxWidth: "100%" }}
        aria-label="What the camera sees"
      />
    </>
  );
}
