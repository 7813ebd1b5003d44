/**
 * The web tool: server, sign-in, pages, forms and their look. It knows no feature; features hand it
 * their {@link loopwright.web.Pages} and an {@link loopwright.web.Accounts}.
 */
@NullMarked
package loopwright.web;

import org.jspecify.annotations.NullMarked;
