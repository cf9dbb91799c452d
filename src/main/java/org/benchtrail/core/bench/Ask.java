package org.benchtrail.core.bench;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** How an input component is asked for: its label, the unit it is entered in, and a hint where to read it off. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Ask {
    String label();

    /** Unit symbol (SI or the trade's), empty for a pure number, a choice or a text. */
    String unit() default "";

    String hint() default "";

    /** How many lines a text is likely to have; more than one for a table or a dump that is pasted in. */
    int lines() default 1;
}
