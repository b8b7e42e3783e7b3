/* One logistic line by plain Newton steps, without safeguards; covariance and deviance at the end. Compiled with -O3 -march=native. */
#include <math.h>

/* out: intercept, slope, their variances and covariance, deviance, log-likelihood. Returns the steps taken. */
int newton(int rows, const double *x, const int *frames, const int *keepers, double *out)
{
    double a = 0, b = 0, w0 = 0, w1 = 0, w2 = 0;
    int step;
    for (step = 1; step <= 50; step++) {
        double s0 = 0, s1 = 0;
        w0 = w1 = w2 = 0;
        for (int i = 0; i < rows; i++) {
            double p = 1 / (1 + exp(-(a + b * x[i])));
            double s = keepers[i] - frames[i] * p;
            double w = frames[i] * p * (1 - p);
            s0 += s;
            s1 += s * x[i];
            w0 += w;
            w1 += w * x[i];
            w2 += w * x[i] * x[i];
        }
        double determinant = w0 * w2 - w1 * w1;
        double da = (w2 * s0 - w1 * s1) / determinant;
        double db = (w0 * s1 - w1 * s0) / determinant;
        a += da;
        b += db;
        if (s0 * da + s1 * db < 1e-18)
            break;
    }
    double likelihood = 0, deviance = 0;
    for (int i = 0; i < rows; i++) {
        double eta = a + b * x[i];
        double k = keepers[i], r = frames[i] - keepers[i];
        double l = (eta < 0 ? k : -r) * eta - (k + r) * log1p(exp(-fabs(eta)));
        likelihood += l;
        deviance += (k > 0 ? k * log(k / frames[i]) : 0) + (r > 0 ? r * log(r / frames[i]) : 0) - l;
    }
    double determinant = w0 * w2 - w1 * w1;
    out[0] = a;
    out[1] = b;
    out[2] = w2 / determinant;
    out[3] = w0 / determinant;
    out[4] = -w1 / determinant;
    out[5] = 2 * deviance;
    out[6] = likelihood;
    return step;
}
