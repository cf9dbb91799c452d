package org.benchtrail.core.method;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A component in somebody's own words, which can name a person: the trail hashes a commitment in its place, so that it can be erased
 * without breaking a hash.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface FreeText {
    /** What stands where words were erased. */
    String ERASED = "(erased)";
}
