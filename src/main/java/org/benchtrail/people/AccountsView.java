package org.benchtrail.people;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One stretch of the list of accounts, by login.
 *
 * @param next the login after which the next stretch begins, or null at the end
 */
public record AccountsView(
        List<AccountView> accounts, @Nullable String next) {}
