import { codePath } from "@/lib/drawing/code-path";
import styles from "./codes.module.css";

const quiet = 4;

/** The secret as a picture to scan and as text to type: whoever cannot scan loses nothing. */
export function SecretPicture({ uri, secret }: { readonly uri: string; readonly secret: string }) {
  const { modules, path } = codePath(uri);
  const side = modules + 2 * quiet;
  return (
    <div className={styles.secret}>
      <svg
        className={styles.picture}
        viewBox={`${-quiet} ${-quiet} ${side} ${side}`}
        role="img"
        aria-label="QR code of the secret; the same secret stands beside it as text"
      >
        <rect x={-quiet} y={-quiet} width={side} height={side} fill="#fff" />
        <path d={path} fill="#000" />
      </svg>
      <div>
        <p>Scan this with the authenticator, or type the key there:</p>
        <p className={styles.key}>{secret}</p>
        <p className="quiet">Six digits, every thirty seconds, SHA-1. It is shown for twenty minutes.</p>
      </div>
    </div>
  );
}
