/** What to mind before doing something: plain words that are not overlooked. */
import type { ComponentChildren } from 'preact';
import './Caution.css';

export const Caution = ({ children }: { children: ComponentChildren }) => (
  <p class="caution" role="note">
    <strong>Mind this.</strong> {children}
  </p>
);
