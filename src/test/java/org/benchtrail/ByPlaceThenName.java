package org.benchtrail;

import java.util.Comparator;
import org.junit.jupiter.api.ClassDescriptor;
import org.junit.jupiter.api.ClassOrderer;
import org.junit.jupiter.api.ClassOrdererContext;
import org.junit.jupiter.api.Order;

/** Classes that ask for a place come first, all others by name: the same order on every machine. */
public class ByPlaceThenName implements ClassOrderer {
    @Override
    public void orderClasses(ClassOrdererContext context) {
        context.getClassDescriptors()
                .sort(Comparator.<ClassDescriptor>comparingInt(ByPlaceThenName::place)
                        .thenComparing(c -> c.getTestClass().getName()));
    }

    private static int place(ClassDescriptor c) {
        return c.findAnnotation(Order.class).map(Order::value).orElse(Order.DEFAULT);
    }
}
