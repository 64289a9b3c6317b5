declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(unitSystem: number): void;
    GetSatVapPres(tempC: number): number;
    GetHumRatioFromRelHum(tempC: number, humidityFraction: number, pressurePa: number): number;
    GetTWetBulbFromRelHum(tempC: number, humidityFraction: number, pressurePa: number): number;
    GetTDewPointFromRelHum(tempC: number, humidityFraction: number): number;
  };
  export default psychrolib;
}
