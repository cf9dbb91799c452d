package org.benchtrail.core.method;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** On a kind of fact, or on a component of one: only the server itself records it, nobody posts it. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.RECORD_COMPONENT})
public @interface ServerOnly {
    /** What to tell whoever posts it; empty for the usual sentence. */
    String value() default "";
}
