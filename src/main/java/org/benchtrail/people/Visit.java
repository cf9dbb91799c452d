package org.benchtrail.people;

import java.util.Optional;

/**
 * From where somebody tries to sign in.
 *
 * @param browser what the cookie of a browser holds in which somebody signed in before
 */
record Visit(String address, Optional<String> browser) {}
