/** Journeys in a real browser: what a person sees and does, once each. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.browser;
