import { PageFrame } from '../parts/PageFrame.tsx';

export const NotFound = () => (
  <PageFrame title="There is no page here">
    <p>
      The address may be mistyped, or the house may be gone. <a href="/">All houses</a> are one page away.
    </p>
  </PageFrame>
);
