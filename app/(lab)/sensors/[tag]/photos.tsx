import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { photoLimitBytes } from "@/lib/domain/sensor/photo";
import type { SensorPage } from "@/lib/views/sensor/sensor";
import { PhotoForm } from "./photo-form.client";
import css from "./photos.module.css";

/** How it looked, with who may add to it. */
export function Photos({ sensor }: { readonly sensor: SensorPage }) {
  return (
    <Section
      title="Photos"
      id="photos"
      note="Place, time and camera are taken out of the file before it is kept."
    >
      {sensor.photos.length === 0 ? (
        <p className="quiet">None yet.</p>
      ) : (
        <ul className={css.photos}>
          {sensor.photos.map((photo, index) => (
            <li key={photo.id}>
              <a href={`/api/photos/${photo.id}`}>
                {/* biome-ignore lint/performance/noImgElement: there is no image optimiser here, on purpose */}
                <img
                  src={`/api/photos/${photo.id}`}
                  alt={photo.caption || `Photo ${index + 1} of ${sensor.tag}`}
                  width={photo.width}
                  height={photo.height}
                  loading="lazy"
                />
              </a>
              {photo.caption ? `${photo.caption}, ` : ""}
              <Timestamp at={photo.takenAt} />
            </li>
          ))}
        </ul>
      )}
      {sensor.mayPrintLabel ? <PhotoForm tag={sensor.tag} longestBytes={photoLimitBytes} /> : null}
    </Section>
  );
}
