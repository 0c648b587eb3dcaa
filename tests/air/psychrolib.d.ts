/** The part of the library that the tests call; it ships no types. */
declare module "psychrolib" {
  const psychrolib: {
    readonly IP: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(dryBulbF: number): number;
    GetHumRatioFromRelHum(dryBulbF: number, relativeHumidity: number, psi: number): number;
    GetMoistAirEnthalpy(dryBulbF: number, humidityRatio: number): number;
    GetMoistAirDensity(dryBulbF: number, humidityRatio: number, psi: number): number;
  };
  export default psychrolib;
}
