/** Accounts, roles, sign-in and the tokens with which programs come in. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.people;
