import { useState } from 'react';

const CHOICES = ['as the machine', 'day', 'night'] as const;
type Light = (typeof CHOICES)[number];
const KEY = 'pintrue-light';

function kept(): Light {
  try {
    const value = localStorage.getItem(KEY);
    return CHOICES.find((c) => c === value) ?? 'as the machine';
  } catch {
    return 'as the machine';
  }
}

/** Sets the page to the light the person chose earlier. */
export function applyLight(light: Light = kept()): void {
  if (light === 'as the machine') delete document.documentElement.dataset.light;
  else document.documentElement.dataset.light = light;
}

/** Day, night, or as the machine has it. */
export function LightChoice() {
  const [light, setLight] = useState(kept);
  return (
    <label className="lightchoice">
      <span className="unseen">Light</span>
      <select
        value={light}
        onChange={(event) => {
          const next = event.target.value as Light;
          setLight(next);
          applyLight(next);
          try {
            localStorage.setItem(KEY, next);
          } catch {
            // Without storage the choice lasts until the page is closed.
          }
        }}
      >
        <option value="as the machine">Light: as the machine</option>
        <option value="day">Light: day</option>
        <option value="night">Light: night</option>
      </select>
    </label>
  );
}
