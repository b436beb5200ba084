// Lengths come as millimetres; the person picks how they are shown.

export type Unit = "mm" | "in";

const MM_PER_INCH = 25.4;

/** With so many decimals, the minus as the other figures have it, and nought without one. */
export function fixed(value: number, decimals: number): string {
  const figure = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(figure) !== 0 ? `−${figure}` : figure;
}

/** A length with its unit: `812 mm` or `31-15/16 in` (to 1/16). */
export function length(mm: number, unit: Unit, decimals = 0): string {
  return unit === "mm" ? `${fixed(mm, decimals)} mm` : `${fraction(mm / MM_PER_INCH, 16)} in`;
}

/** Where the saw goes: to a tenth of a millimetre or 1/32 in, without the unit, which the head names. */
export function saw(mm: number, unit: Unit): string {
  return unit === "mm" ? fixed(mm, 1) : fraction(mm / MM_PER_INCH, 32);
}

/** Words with their lengths as the person reads them; what stands in quotes is a name and stays. */
export function prose(words: string, unit: Unit): string {
  let isName = false;
  return unit === "mm" ? words : words.replace(/[“”]|(?<![\p{L}\p{N}.-])(\d+(?:\.\d+)?) mm(?![\p{L}\p{N}])/gu, (found, mm: string | undefined) => {
    if (mm === undefined) {
      isName = found === "“";
    }
    return mm === undefined || isName ? found : length(Number(mm), unit);
  });
}

/** A small length, such as ±: `3.1 mm` or `0.12 in`. */
export function small(mm: number, unit: Unit): string {
  return unit === "mm" ? `${fixed(mm, 1)} mm` : `${fixed(mm / MM_PER_INCH, 2)} in`;
}

/** A length over a metre: `3.42 m` or `11 ft 2-5/8 in`; under a foot in inches alone. */
export function long(mm: number, unit: Unit): string {
  if (unit === "mm") {
    return `${fixed(mm / 1000, 2)} m`;
  }
  // Rounded before the feet are counted: 11.97 in over are a foot more, never 12 in.
  const sixteenths = Math.round(mm / MM_PER_INCH * 16);
  const feet = Math.floor(sixteenths / 192);
  return feet < 1 ? length(mm, unit) : `${feet} ft ${fraction(sixteenths / 16 - 12 * feet, 16)} in`;
}

/** A coordinate without its unit, which the head of the column names. */
export function coordinate(mm: number, unit: Unit): string {
  return unit === "mm" ? fixed(mm, 0) : fixed(mm / MM_PER_INCH, 1);
}

/** Inches to the nearest part of an inch as a tape shows them. */
export function fraction(inches: number, parts: number): string {
  const count = Math.round(Math.abs(inches) * parts);
  const sign = inches < 0 && count > 0 ? "−" : "";
  const whole = Math.floor(count / parts);
  let top = count % parts;
  if (top === 0) {
    return `${sign}${whole}`;
  }
  let bottom = parts;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole}-${top}/${bottom}`;
}

export function degrees(value: number): string {
  return `${fixed(value, 1)}°`;
}

export function signedDegrees(value: number): string {
  return plus(degrees(value));
}

/** A signed small length: `+3.1 mm`. */
export function signed(mm: number, unit: Unit): string {
  return plus(small(mm, unit));
}

/** With its sign always. */
function plus(figure: string): string {
  return figure.startsWith("−") ? figure : `+${figure}`;
}

/** A clock mark in hours: `4:30`. */
export function clock(hours: number): string {
  const minutes = Math.round(hours * 60);
  const hour = Math.floor(minutes / 60) % 12;
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, "0")}`;
}
