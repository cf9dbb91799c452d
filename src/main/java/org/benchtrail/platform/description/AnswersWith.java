package org.benchtrail.platform.description;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What an endpoint answers when all is well, where its return type does not say so. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface AnswersWith {
    /** The record that becomes the JSON; {@code byte[]} for a file. */
    Class<?> value();

    int status() default 200;

    /** What a body of JSON is read as, where the endpoint reads it itself; its kinds are told apart by {@code kind}. */
    Class<?> body() default void.class;

    /** Whether it is a list of such records. */
    boolean list() default false;

    /** The version of what is answered is in the tag, and a change has to name it. */
    boolean versioned() default false;

    /** A Link header leads to the next page. */
    boolean paged() default false;

    /** Sent again with the same Idempotency-Key it is done once. */
    boolean once() default false;
}
