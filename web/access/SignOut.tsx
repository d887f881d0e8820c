/** For whoever has signed in; nothing on this machine alone. */
import { useLoaded } from '../useLoaded.ts';
import { getAccess, signOut } from './accessApi.ts';

export function SignOut() {
  const { loaded } = useLoaded(getAccess, 'access');
  if (loaded.kind !== 'loaded' || loaded.value.kind !== 'signed in') return null;
  const leave = async () => {
    await signOut();
    location.assign('/sign-in');
  };
  return (
    <p class="small screen-only">
      <button type="button" class="quiet" onClick={leave}>
        Sign out
      </button>
    </p>
  );
}
