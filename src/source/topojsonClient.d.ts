/** The one function used of `topojson-client`, which carries no types of its own. */
declare module 'topojson-client' {
  /** An area as GeoJSON writes it: rings of longitude and latitude [°]. */
  export type AreaGeometry =
    | { readonly type: 'Polygon'; readonly coordinates: number[][][] }
    | { readonly type: 'MultiPolygon'; readonly coordinates: number[][][][] };

  const topojson: {
    /** Turns a collection of a topology into features with plain coordinates. */
    feature(
      topology: object,
      collection: object,
    ): {
      readonly features: readonly {
        readonly id: string | number;
        readonly properties: { readonly name: string };
        readonly geometry: AreaGeometry;
      }[];
    };
  };
  export default topojson;
}
