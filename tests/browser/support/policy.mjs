// The strictest content policy that the page must live with (issue 6), put on the page as a server would.
const k_policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; "
  + "connect-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'";

export const underPolicy = (page) => page.route((url) => url.pathname === '/', async (route) => {
  const response = await route.fetch();
  await route.fulfill({ response, headers: { ...response.headers(), 'content-security-policy': k_policy } });
});
