/** Where nothing is drawn yet: the way to the editor that draws it. */
export const DrawBuildUps = ({ house }: { readonly house: string }) => (
  <p class="way screen-only">
    <a href={`/house/${house}/build-up`}>Draw its build-ups</a>
    <span class="small lesser">and the measurement is set beside them.</span>
  </p>
);
