// Lengths come as millimetres; the person picks how they are shown.

export type Unit = "mm" | "in";

const MM_PER_INCH = 25.4;

/** A length with its unit: `812 mm` or `31-15/16 in` (to 1/16). */
export function length(mm: number, unit: Unit, decimals = 0): string {
  return unit === "mm" ? `${mm.toFixed(decimals)} mm` : `${fraction(mm / MM_PER_INCH, 16)} in`;
}

/** Where the saw goes: to half a millimetre or 1/32 in, without the unit, which the head names. */
export function saw(mm: number, unit: Unit): string {
  return unit === "mm" ? mm.toFixed(1).replace("-", "−") : fraction(mm / MM_PER_INCH, 32);
}

/** A small length, such as ±: `3.1 mm` or `0.12 in`. */
export function small(mm: number, unit: Unit): string {
  return unit === "mm" ? `${mm.toFixed(1)} mm` : `${(mm / MM_PER_INCH).toFixed(2)} in`;
}

/** A length over a metre: `3.42 m` or `11 ft 2-5/8 in`. */
export function long(mm: number, unit: Unit): string {
  if (unit === "mm") {
    return `${(mm / 1000).toFixed(2)} m`;
  }
  const feet = Math.floor(mm / MM_PER_INCH / 12);
  return `${feet} ft ${fraction(mm / MM_PER_INCH - 12 * feet, 16)} in`;
}

/** A coordinate without its unit, which the head of the column names. */
export function coordinate(mm: number, unit: Unit): string {
  return (unit === "mm" ? mm.toFixed(0) : (mm / MM_PER_INCH).toFixed(1)).replace("-", "−");
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
  return `${value.toFixed(1)}°`;
}

export function signedDegrees(value: number): string {
  return `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)}°`;
}

/** A signed small length: `+3.1 mm`. */
export function signed(mm: number, unit: Unit): string {
  return `${mm < 0 ? "−" : "+"}${small(Math.abs(mm), unit)}`;
}

/** A clock mark in hours: `4:30`. */
export function clock(hours: number): string {
  const minutes = Math.round(hours * 60);
  const hour = Math.floor(minutes / 60) % 12;
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, "0")}`;
}
