/** What the tests use of the reference library, which brings no types. Temperatures in C, pressures in Pa, humidity 0..1. */
declare module 'psychrolib' {
  export const SI: number;
  export function SetUnitSystem(system: number): void;
  export function GetSatVapPres(tempC: number): number;
  export function GetTDewPointFromRelHum(tempC: number, humidity: number): number;
  export function GetTWetBulbFromRelHum(tempC: number, humidity: number, pressure: number): number;
}
