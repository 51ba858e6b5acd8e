/** Millimetres in an inch, exact: international yard and pound agreement, 1959 (key SP811). */
export const INCH_MM = 25.4;
/** Kilograms in a pound avoirdupois, exact (key SP811). */
export const POUND_KG = 0.45359237;
/** Standard gravity in m/s², exact: 3rd CGPM, 1901 (key CGPM3). */
export const GRAVITY = 9.80665;
/** Newtons in a pound-force, exact by the two above. */
export const POUND_FORCE_N = POUND_KG * GRAVITY;
/** Litres in a US gallon of 231 cubic inches, exact (key HB44). */
export const US_GALLON_L = (231 * INCH_MM ** 3) / 1e6;
/** Litres in an imperial gallon, exact (key WMA1985). */
export const IMPERIAL_GALLON_L = 4.54609;
/** Kilometres in a statute mile, exact (key SP811). */
export const MILE_KM = (INCH_MM * 12 * 5280) / 1e6;
/** Kilopascals in a standard atmosphere, exact: 10th CGPM, 1954 (key SI). */
export const ATMOSPHERE_KPA = 101.325;
/** Kilopascals in a conventional millimetre of mercury, exact by convention (key SP811). */
export const MMHG_KPA = 0.133322387415;
/** Kilopascals in a conventional millimetre of water at 4 °C: 1 kg/dm³ under standard gravity (key SP811). */
export const MMH2O_KPA = GRAVITY / 1000;
/** Kilojoules per kilogram in one Btu(IT) per pound, exact (key SP811). */
export const BTU_PER_POUND_KJ_KG = 2.326;
